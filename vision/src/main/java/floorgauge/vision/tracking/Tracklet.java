package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import floorgauge.vision.network.NumberBelief;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Sightings of one person without a break in doubt, in order of time, at least one. */
final class Tracklet {

    private final List<Sighting> sightings;

    Tracklet(List<Sighting> sightings) {
        if (sightings.isEmpty()) {
            throw new IllegalArgumentException("a tracklet has at least one sighting");
        }
        this.sightings = List.copyOf(sightings);
    }

    List<Sighting> sightings() {
        return sightings;
    }

    double startSeconds() {
        return sightings.get(0).timeSeconds();
    }

    double endSeconds() {
        return sightings.get(sightings.size() - 1).timeSeconds();
    }

    /** Filtered forward to the last sighting. */
    FloorState endState(FloorMotion motion) {
        FloorState state = motion.start(sightings.get(0).foot());
        for (int i = 1; i < sightings.size(); i++) {
            double dt = sightings.get(i).timeSeconds() - sightings.get(i - 1).timeSeconds();
            state = motion.updateRobustly(
                    motion.predict(state, dt), sightings.get(i).foot());
        }
        return state;
    }

    /** Filtered backward to the first sighting; the velocity is that of time running forward. */
    FloorState startState(FloorMotion motion) {
        int last = sightings.size() - 1;
        FloorState state = motion.start(sightings.get(last).foot());
        for (int i = last - 1; i >= 0; i--) {
            double dt = sightings.get(i + 1).timeSeconds() - sightings.get(i).timeSeconds();
            state = motion.updateRobustly(
                    motion.predict(state, dt), sightings.get(i).foot());
        }
        return reversed(state);
    }

    /** Time running the other way turns the velocity and its covariance with the position about. */
    static FloorState reversed(FloorState state) {
        double[] m = state.mean();
        double[][] c = new double[FloorState.SIZE][FloorState.SIZE];
        for (int i = 0; i < FloorState.SIZE; i++) {
            for (int j = 0; j < FloorState.SIZE; j++) {
                boolean cross = i < 2 != j < 2;
                c[i][j] = cross ? -state.covariance()[i][j] : state.covariance()[i][j];
            }
        }
        return new FloorState(new double[] {m[0], m[1], -m[2], -m[3]}, c);
    }

    /** The kit between two instants. */
    Optional<KitColour> kit(double fromSeconds, double toSeconds) {
        List<KitColour> kits = new ArrayList<>();
        for (Sighting sighting : sightings) {
            if (sighting.timeSeconds() >= fromSeconds && sighting.timeSeconds() <= toSeconds) {
                sighting.kit().ifPresent(kits::add);
            }
        }
        return kits.isEmpty() ? Optional.empty() : Optional.of(KitColour.mean(kits));
    }

    /** What was read on the jersey. */
    List<NumberBelief> numbers() {
        return sightings.stream().flatMap(s -> s.number().stream()).toList();
    }

    /** The middle of the heights seen between two instants; empty where fewer than three were. */
    OptionalDouble heightMetres(double fromSeconds, double toSeconds) {
        double[] heights = sightings.stream()
                .filter(s -> s.timeSeconds() >= fromSeconds && s.timeSeconds() <= toSeconds)
                .flatMapToDouble(s -> s.heightMetres().stream())
                .sorted()
                .toArray();
        return heights.length < 3 ? OptionalDouble.empty() : OptionalDouble.of(heights[heights.length / 2]);
    }

    /** From an instant on; empty where nothing comes then. */
    Optional<Tracklet> from(double seconds) {
        return part(firstFrom(seconds), sightings.size());
    }

    /** What comes before an instant; empty where nothing does. */
    Optional<Tracklet> before(double seconds) {
        return part(0, firstFrom(seconds));
    }

    /** From an instant on and before another; empty where nothing is between. */
    Optional<Tracklet> between(double fromSeconds, double beforeSeconds) {
        return part(firstFrom(fromSeconds), firstFrom(beforeSeconds));
    }

    private Optional<Tracklet> part(int from, int to) {
        if (from >= to) {
            return Optional.empty();
        }
        return Optional.of(from == 0 && to == sightings.size() ? this : new Tracklet(sightings.subList(from, to)));
    }

    /** Index of the first sighting at or after an instant. */
    private int firstFrom(double seconds) {
        int low = 0;
        int high = sightings.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (sightings.get(middle).timeSeconds() < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The pieces between the given instants, in order; an instant belongs to the piece after it. */
    List<Tracklet> cutAt(List<Double> instants) {
        List<Tracklet> pieces = new ArrayList<>();
        List<Sighting> piece = new ArrayList<>();
        int next = 0;
        for (Sighting sighting : sightings) {
            while (next < instants.size() && sighting.timeSeconds() >= instants.get(next)) {
                next++;
                if (!piece.isEmpty()) {
                    pieces.add(new Tracklet(piece));
                    piece = new ArrayList<>();
                }
            }
            piece.add(sighting);
        }
        pieces.add(new Tracklet(piece));
        return pieces;
    }
}
