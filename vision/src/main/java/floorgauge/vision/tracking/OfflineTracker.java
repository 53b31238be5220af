package floorgauge.vision.tracking;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerTrack;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import floorgauge.vision.kit.TeamSorter;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Sightings in, tracks out. Frames are taken one by one; the tracks are made when all have been, with the whole film in
 * view. Not safe for use by several threads.
 */
public final class OfflineTracker {

    /** Persons who appear on the floor, per square metre, against those who only were not seen for a while. */
    private static final double APPEARING_DENSITY = 0.001;

    /** The same where the number of players is known: nobody comes or goes. */
    private static final double APPEARING_DENSITY_CLOSED = 1e-6;

    private final TrackingSettings settings;
    private final RuleSet rules;
    private final TrackletBuilder builder;
    private final SortedMap<Long, Double> frameTimes = new TreeMap<>();
    private long looks;
    private double firstLookSeconds;
    private double lastLookSeconds;

    /**
     * @param confidentScore a sighting with a lower score can continue a track but not start one, 0 to 1
     * @param rules the court, to tell players from those beside it
     */
    public OfflineTracker(TrackingSettings settings, double confidentScore, RuleSet rules) {
        this.settings = settings;
        this.rules = rules;
        this.builder = new TrackletBuilder(settings, confidentScore);
    }

    /**
     * Takes the next frame in which people were looked for.
     *
     * @param seen everyone on the floor, may be empty
     */
    public void looked(long frame, double timeSeconds, List<Sighting> seen) {
        frameTimes.put(frame, timeSeconds);
        if (looks == 0) {
            firstLookSeconds = timeSeconds;
        }
        lastLookSeconds = timeSeconds;
        looks++;
        builder.frame(timeSeconds, seen);
    }

    /** Takes a frame in which people were not looked for. */
    public void passed(long frame, double timeSeconds) {
        frameTimes.put(frame, timeSeconds);
    }

    /** The tracks of all frames taken. */
    public FilmTracks tracks() {
        return tracked(false).tracks();
    }

    /** The tracks of all frames taken, with the kits. */
    TrackedFilm tracked(boolean staticCamera) {
        List<Tracklet> pieces = TrackSelection.repeated(EncounterCutter.cut(builder.tracklets(), builder.encounters()));
        KitLikelihood kits = KitLearner.learn(pieces);
        List<Exchange> exchanges = new ArrayList<>();
        List<Tracklet> tracks = link(pieces, kits, settings.joinGapSeconds(), APPEARING_DENSITY, exchanges);
        if (settings.playersPerSide().isPresent()) {
            tracks = link(tracks, kits, Double.MAX_VALUE, APPEARING_DENSITY_CLOSED, exchanges);
        }
        tracks = TrackSelection.select(tracks, settings, rules, lookSeconds());
        TeamSorter.Sorted teams = TeamSorter.sort(
                tracks.stream()
                        .map(t -> t.kit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY))
                        .toList(),
                tracks.stream().mapToDouble(t -> t.sightings().size()).toArray(),
                settings.playersPerSide());
        return new TrackedFilm(
                assembled(tracks, teams, exchanges),
                new TeamKits(rgb(teams.first()), rgb(teams.second())),
                staticCamera);
    }

    private static OptionalInt rgb(Optional<KitColour> kit) {
        return kit.isPresent() ? OptionalInt.of(kit.get().meanRgb()) : OptionalInt.empty();
    }

    /** Mean time between two looks. */
    private double lookSeconds() {
        return looks < 2 ? 0 : (lastLookSeconds - firstLookSeconds) / (looks - 1);
    }

    private List<Tracklet> link(
            List<Tracklet> pieces, KitLikelihood kits, double gap, double density, List<Exchange> exchanges) {
        LinkCost cost = new LinkCost(pieces, settings.motion(), kits, gap, density);
        int[] successors = TrackletLinker.successors(pieces, cost, gap);
        exchanges.addAll(ExchangeFinder.find(pieces, successors, cost));
        return TrackletLinker.joined(pieces, TrackletLinker.chains(successors));
    }

    private FilmTracks assembled(List<Tracklet> tracks, TeamSorter.Sorted teams, List<Exchange> exchanges) {
        GapFiller filler = new GapFiller(settings.motion(), settings.fillGapSeconds(), frameTimes);
        List<List<IdentityDoubt>> doubts = doubts(tracks, exchanges);
        List<PlayerTrack> players = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            players.add(new PlayerTrack(
                    i + 1,
                    teams.memberships().get(i).team(),
                    teams.memberships().get(i).probability(),
                    filler.filled(tracks.get(i)),
                    doubts.get(i)));
        }
        return new FilmTracks(frameTimes, players, Optional.empty());
    }

    private static List<List<IdentityDoubt>> doubts(List<Tracklet> tracks, List<Exchange> exchanges) {
        Map<Sighting, Integer> trackOf = new IdentityHashMap<>();
        List<List<IdentityDoubt>> doubts = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            doubts.add(new ArrayList<>());
            for (Sighting sighting : tracks.get(i).sightings()) {
                trackOf.put(sighting, i);
            }
        }
        for (Exchange e : exchanges) {
            Integer one = trackOf.get(e.one());
            Integer other = trackOf.get(e.other());
            if (one != null && other != null && !one.equals(other)) {
                doubts.get(one).add(doubt(e, other));
                doubts.get(other).add(doubt(e, one));
            }
        }
        doubts.forEach(list -> list.sort(java.util.Comparator.comparingDouble(IdentityDoubt::fromSeconds)
                .thenComparingInt(IdentityDoubt::otherTrackId)));
        return doubts;
    }

    private static IdentityDoubt doubt(Exchange e, int other) {
        return new IdentityDoubt(other + 1, e.fromSeconds(), e.toSeconds(), e.probability());
    }
}
