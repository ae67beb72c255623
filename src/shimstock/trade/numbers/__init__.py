"""What a number is: its unit, as typed, its uncertainty, its working, source and cautions."""
