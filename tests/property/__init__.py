"""What holds of every pathway, tried on random ones."""
