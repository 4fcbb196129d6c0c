"""What this tool may do to a disk: in which folders, to which files, whole or not at all, one run at a time."""
