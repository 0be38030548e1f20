"""Engine speed at a road speed: axle ratios, gears, tyres, and what the speedometer then shows."""
