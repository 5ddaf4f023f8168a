"""Every front end a person types at; no meaning is decided here."""
