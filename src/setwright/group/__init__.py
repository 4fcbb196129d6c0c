"""A group in front of its coach: whether kit goes round, and when each part of the hour begins. No I/O, no words."""
