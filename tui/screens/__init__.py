"""The screens of the terminal program, one file each."""
