"""Reading the coach's files: trees with positions, findings, links between files, editor schemas."""
