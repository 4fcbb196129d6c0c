"""What a coach may write, one file a concept; units parsed into plain numbers."""
