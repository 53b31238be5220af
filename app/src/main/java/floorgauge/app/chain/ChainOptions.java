package floorgauge.app.chain;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * What was asked for on the command line.
 *
 * @param points court points for all films
 * @param court name of a rule book
 * @param standards the team's standards
 * @param tracks tracks to measure instead of a picture
 */
public record ChainOptions(
        Optional<Path> points, Optional<String> court, Optional<Path> standards, Optional<Path> tracks) {

    public ChainOptions {
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(standards, "standards");
        Objects.requireNonNull(tracks, "tracks");
    }
}
