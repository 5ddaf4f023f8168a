"""The texts of pathways in another language: each bound to the text it was made of."""
