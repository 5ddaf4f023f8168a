"""What an answer or an action does: the one meaning every driver calls."""
