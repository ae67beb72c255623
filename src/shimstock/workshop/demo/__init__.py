"""An invented club shed with two machines half-way through, to see the program work."""
