"""From nothing to a published club: a new project, and movements that travel with the tool."""
