package floorgauge.events.play;

import java.util.List;
import java.util.Optional;

/** Everyone at one tick of the uniform clock, players in order of id. */
record FloorTick(long tick, List<PlayerTick> players, Optional<BallTick> ball) {}
