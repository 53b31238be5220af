package floorgauge.events.play;

import floorgauge.court.track.Team;
import floorgauge.events.motion.MotionSample;

/** One player at one tick. */
record PlayerTick(int trackId, Team team, double teamProbability, MotionSample motion, BodyTick body) {}
