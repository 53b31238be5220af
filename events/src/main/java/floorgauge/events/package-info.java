package floorgauge.events;
