"""What of a pathway stands on one wall, and where each way out of it leads."""
