package floorgauge.app;
