"""The audit of a sheet as printed: on the placed sheet and on the finished PDF, rule by rule."""
