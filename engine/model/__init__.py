"""What a pathway is: plain frozen values, without positions, colours or paths."""
