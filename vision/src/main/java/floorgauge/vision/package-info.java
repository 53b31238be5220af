package floorgauge.vision;
