"""The propeller shaft between gearbox and axle: its length and travel, the speed at which it whips, its joints."""
