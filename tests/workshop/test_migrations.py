"""The tables are those of the models: nothing waits for a migration that nobody wrote."""

from django.core.management import call_command


def test_no_migration_is_missing(db):
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)
