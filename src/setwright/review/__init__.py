"""What a physiotherapist reviews: digests of the parts, sign-offs, what changed since, what changed between states."""
