"""The pocket card: four panels that fold into one, for the lanyard and the corridor."""
