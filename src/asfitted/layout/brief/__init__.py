"""The route brief: pages for the scaffold, and the labels that go on what is fitted."""
