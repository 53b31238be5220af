package floorgauge.app.result;

import floorgauge.events.finding.SpacingSample;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Spacing over time in {@code findings.json}: one list a quantity, all of one length, null where nothing was measured.
 *
 * @param json where the fields go
 */
record SpacingFields(JsonFields json) {

    void write(List<SpacingSample> samples) throws IOException {
        column("timeSeconds", samples, s -> OptionalDouble.of(s.timeSeconds()));
        column("attackers", samples, s -> OptionalDouble.of(s.attackers()));
        column("leastNearestMetres", samples, SpacingSample::leastNearestMetres);
        column("leastNearestStandardErrorMetres", samples, SpacingSample::leastNearestStandardErrorMetres);
        column("meanNearestMetres", samples, SpacingSample::meanNearestMetres);
        column("hullSquareMetres", samples, s -> OptionalDouble.of(s.hullSquareMetres()));
        column("inLane", samples, s -> OptionalDouble.of(s.inLane()));
        column("cornersFilled", samples, s -> OptionalDouble.of(s.cornersFilled()));
        column("drivingLaneMetres", samples, SpacingSample::drivingLaneMetres);
        column("helpDistanceMetres", samples, SpacingSample::helpDistanceMetres);
        column("duringAction", samples, s -> OptionalDouble.of(s.duringAction() ? 1 : 0));
    }

    private void column(String name, List<SpacingSample> samples, Function<SpacingSample, OptionalDouble> value)
            throws IOException {
        json.column(name, samples.stream().map(value).toList());
    }
}
