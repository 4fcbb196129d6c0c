"""PDF sheets made at build time: sessions for the wall, weeks and plans to take along, exercises to sign off."""
