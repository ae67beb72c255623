"""Oil and coolant: viscosity at a temperature, grades, and antifreeze for a frost."""
