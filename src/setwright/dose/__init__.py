"""From what the coach wrote to explicit numbers. Pure arithmetic: no files, no clock, no browser."""
