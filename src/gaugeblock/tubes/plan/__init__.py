"""The plan of one tube: from what it must clear to marks on a straight stick."""
