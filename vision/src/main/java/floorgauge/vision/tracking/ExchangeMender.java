package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitLikelihood;
import floorgauge.vision.number.TrackNumbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Mends exchanges of two tracks backwards: where two tracks met, the seconds before and the seconds after are compared as
 * they were joined and crossed, by motion through the meeting, by kit, by height and by the number on
 * the jersey. Crossing is done where it is the
 * likelier; where it is nearly as likely it is told. With D nats for the tracks as they are, they were exchanged with
 * probability 1 / (1 + e^D).
 */
final class ExchangeMender {

    /** Two who come this close may be taken for each other. */
    private static final double MEETING_METRES = 1.5;

    /** Meetings of the same two with less time between are one. */
    private static final double SAME_MEETING_SECONDS = 0.7;

    /** So much of each track is compared on either side of a meeting. */
    private static final double CONTEXT_SECONDS = 4;

    /** Instants at which the tracks may have been exchanged are tried so far apart. */
    private static final double STEP_SECONDS = 0.15;

    /** Below this the two are told apart. */
    private static final double LEAST_PROBABILITY = 0.01;

    private final FloorMotion motion;
    private final KitLikelihood kits;
    private final HeightLikelihood heights;
    private final List<Exchange> doubts = new ArrayList<>();

    ExchangeMender(FloorMotion motion, KitLikelihood kits, HeightLikelihood heights) {
        this.motion = motion;
        this.kits = kits;
        this.heights = heights;
    }

    /** Meetings in which an exchange stays possible, found by {@link #mended}. */
    List<Exchange> doubts() {
        return List.copyOf(doubts);
    }

    private record Meeting(int one, int other, double fromSeconds, double toSeconds) {}

    /**
     * The tracks with exchanges mended, each in its place.
     *
     * @param tracks that do not share sightings
     */
    List<Tracklet> mended(List<Tracklet> tracks) {
        List<Tracklet> result = new ArrayList<>(tracks);
        for (Meeting meeting : meetings(tracks)) {
            mend(result, meeting);
        }
        return result;
    }

    private void mend(List<Tracklet> tracks, Meeting meeting) {
        double least = Double.POSITIVE_INFINITY;
        double at = Double.NaN;
        for (double t = meeting.fromSeconds(); t <= meeting.toSeconds() + 1e-9; t += STEP_SECONDS) {
            double margin = margin(tracks.get(meeting.one()), tracks.get(meeting.other()), t);
            if (margin < least) {
                least = margin;
                at = t;
            }
        }
        if (least < 0) {
            cross(tracks, meeting, at);
        }
        double probability = 1 / (1 + Math.exp(Math.abs(least)));
        if (probability >= LEAST_PROBABILITY) {
            doubts.add(new Exchange(
                    lastBefore(tracks.get(meeting.one()), at),
                    lastBefore(tracks.get(meeting.other()), at),
                    meeting.fromSeconds(),
                    meeting.toSeconds(),
                    probability));
        }
    }

    private static Sighting lastBefore(Tracklet track, double seconds) {
        Tracklet before = track.before(seconds).orElseThrow();
        return before.sightings().get(before.sightings().size() - 1);
    }

    private static void cross(List<Tracklet> tracks, Meeting meeting, double at) {
        Tracklet one = tracks.get(meeting.one());
        Tracklet other = tracks.get(meeting.other());
        tracks.set(meeting.one(), spliced(one, other, at));
        tracks.set(meeting.other(), spliced(other, one, at));
    }

    private static Tracklet spliced(Tracklet head, Tracklet tail, double at) {
        List<Sighting> sightings = new ArrayList<>(head.before(at).orElseThrow().sightings());
        sightings.addAll(tail.from(at).orElseThrow().sightings());
        return new Tracklet(sightings);
    }

    /** What crossing at an instant costs more than the tracks as they are, in nats; infinite where it cannot be. */
    private double margin(Tracklet one, Tracklet other, double at) {
        Optional<Side> oneBefore = before(one, at);
        Optional<Side> oneAfter = after(one, at);
        Optional<Side> otherBefore = before(other, at);
        Optional<Side> otherAfter = after(other, at);
        if (oneBefore.isEmpty() || oneAfter.isEmpty() || otherBefore.isEmpty() || otherAfter.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        return likeness(oneBefore.get(), oneAfter.get())
                + likeness(otherBefore.get(), otherAfter.get())
                - likeness(oneBefore.get(), otherAfter.get())
                - likeness(otherBefore.get(), oneAfter.get());
    }

    /** A track on one side of an instant. */
    private record Side(Tracklet piece, FloorState state, double edgeSeconds, TrackNumbers.Shares numbers) {}

    private Optional<Side> before(Tracklet track, double at) {
        return track.between(at - CONTEXT_SECONDS, at)
                .map(t -> new Side(t, t.endState(motion), t.endSeconds(), TrackNumbers.Shares.of(t.numbers())));
    }

    private Optional<Side> after(Tracklet track, double at) {
        return track.between(at, at + CONTEXT_SECONDS)
                .map(t -> new Side(t, t.startState(motion), t.startSeconds(), TrackNumbers.Shares.of(t.numbers())));
    }

    private double likeness(Side before, Side after) {
        double gap = Math.max(0, after.edgeSeconds() - before.edgeSeconds());
        double ratio = StateComparison.logDensity(motion.predict(before.state(), gap), after.state());
        var one = before.piece().kit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        var other = after.piece().kit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        if (one.isPresent() && other.isPresent()) {
            ratio += kits.logRatio(one.get(), other.get());
        }
        return ratio
                + before.numbers().logRatio(after.numbers())
                + heights.logRatio(
                        before.piece().heightMetres(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
                        after.piece().heightMetres(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    /** In order of time. */
    private static List<Meeting> meetings(List<Tracklet> tracks) {
        List<Meeting> meetings = new ArrayList<>();
        List<TrackPath> paths = tracks.stream().map(TrackPath::new).toList();
        for (int i = 0; i < tracks.size(); i++) {
            for (int k = i + 1; k < tracks.size(); k++) {
                if (paths.get(i).overlaps(paths.get(k))) {
                    addMeetings(meetings, paths, i, k);
                }
            }
        }
        meetings.sort(java.util.Comparator.comparingDouble(Meeting::fromSeconds)
                .thenComparingInt(Meeting::one)
                .thenComparingInt(Meeting::other));
        return meetings;
    }

    private static void addMeetings(List<Meeting> meetings, List<TrackPath> paths, int i, int k) {
        TrackPath one = paths.get(i);
        TrackPath other = paths.get(k);
        SortedSet<Double> times = new TreeSet<>(one.times());
        times.addAll(other.times());
        double from = Double.NaN;
        double last = Double.NaN;
        for (double t : times) {
            if (!one.covers(t) || !other.covers(t) || one.at(t).distanceTo(other.at(t)) > MEETING_METRES) {
                continue;
            }
            if (!Double.isNaN(last) && t - last > SAME_MEETING_SECONDS) {
                meetings.add(new Meeting(i, k, from, last));
                from = t;
            }
            from = Double.isNaN(from) ? t : from;
            last = t;
        }
        if (!Double.isNaN(last)) {
            meetings.add(new Meeting(i, k, from, last));
        }
    }
}
