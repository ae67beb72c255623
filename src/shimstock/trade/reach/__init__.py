"""What must come off to reach a thing, what that uses up, and what still blocks closing a joint."""
