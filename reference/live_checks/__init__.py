"""Families of fresh random questions with the answers of outside libraries; see ../live.py."""
