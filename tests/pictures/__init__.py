"""The pictures of the README, made from the pathways that come along."""
