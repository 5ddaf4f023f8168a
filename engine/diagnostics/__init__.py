"""Problems of a file and how they are told."""
