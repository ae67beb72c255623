"""Heat and cold that free what is seized, and the stress they leave."""
