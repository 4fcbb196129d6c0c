"""What other programs subscribe to: calendars."""
