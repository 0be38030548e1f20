"""Axle shafts: the torque that can reach one shaft, and what it does to it."""
