"""The commands, by what a coach is about: each reads its options, calls one function and prints what came back."""
