"""The only room that writes files for the user."""
