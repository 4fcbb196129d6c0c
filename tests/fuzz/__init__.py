"""Fuzzing: mutated files through the reader, and whole random programmes through the whole build."""
