"""Mutation testing: small mistakes are put into the code, one at a time, and the tests have to notice."""
