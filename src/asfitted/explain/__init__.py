"""The working of one thing of a job, put together as a person would write it down."""
