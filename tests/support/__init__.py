"""What the tests are built from: tiny pathways, random libraries, and independent judges."""
