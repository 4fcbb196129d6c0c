"""Everything that a member reads about a dose, in words: one place for pages, sheets and phones."""
