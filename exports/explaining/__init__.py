"""What a diagnostic means, with an example of what is wrong and what is right."""
