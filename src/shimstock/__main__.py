"""`python -m shimstock` is the program itself."""

from shimstock.faces.cli.main import run

if __name__ == "__main__":
    run()
