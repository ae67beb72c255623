"""Pictures as bytes and files: checked by content, turned upright, made small, kept."""
