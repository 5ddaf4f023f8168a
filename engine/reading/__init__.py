"""From a file to the model: located tree, shapes, building, names."""
