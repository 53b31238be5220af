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
 */
public record ChainOptions(Optional<Path> points, Optional<String> court, Optional<Path> standards) {

    public ChainOptions {
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(court, "court");
        Objects.requireNonNull(standards, "standards");
    }
}
