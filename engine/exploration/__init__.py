"""Every state a team can come to, by the meaning of `advance` put into integers."""
