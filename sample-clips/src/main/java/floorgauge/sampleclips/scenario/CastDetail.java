package floorgauge.sampleclips.scenario;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a scenario fixes of a player; the rest is the seed's.
 *
 * @param name invented
 * @param number on the jersey
 * @param heightMetres body height
 * @param build girth over the average
 * @param skinRgb skin
 * @param shirtRgb shirt, for an odd kit
 */
record CastDetail(
        Optional<String> name,
        OptionalInt number,
        OptionalDouble heightMetres,
        OptionalDouble build,
        OptionalInt skinRgb,
        OptionalInt shirtRgb) {}
