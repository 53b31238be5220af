package floorgauge.vision.tracking;

import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import floorgauge.vision.kit.TeamSorter;
import floorgauge.vision.number.TrackNumbers;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
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
public final class OfflineTracker implements LookTaker {

    /** Persons who appear on the floor, per square metre, against those who only were not seen for a while. */
    private static final double APPEARING_DENSITY = 0.001;

    /** The same where people come and go. */
    private static final double APPEARING_DENSITY_OPEN = 0.01;

    /** The same where the number of players is known: nobody comes or goes. */
    private static final double APPEARING_DENSITY_CLOSED = 1e-6;

    /** Sightings of nobody, per square metre of floor and frame looked at. */
    private static final double FALSE_ALARM_DENSITY = 0.01;

    private final TrackingSettings settings;
    private final RuleSet rules;
    private final TrackletBuilder builder;
    private final SortedMap<Long, Double> frameTimes = new TreeMap<>();
    private final SortedMap<Double, List<Sighting>> sightings = new TreeMap<>();
    private final List<DetectionFate> dropped = new ArrayList<>();
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
    @Override
    public void looked(long frame, double timeSeconds, List<Sighting> seen) {
        frameTimes.put(frame, timeSeconds);
        if (looks == 0) {
            firstLookSeconds = timeSeconds;
        }
        lastLookSeconds = timeSeconds;
        looks++;
        List<Sighting> told = seen.stream().map(this::told).toList();
        sightings.put(timeSeconds, told);
        builder.frame(timeSeconds, told);
    }

    /** Takes a frame in which people were not looked for. */
    @Override
    public void passed(long frame, double timeSeconds) {
        frameTimes.put(frame, timeSeconds);
    }

    @Override
    public void dropped(List<DetectionFate> boxes) {
        dropped.addAll(boxes);
    }

    private Sighting told(Sighting sighting) {
        Sighting told = settings.parts().appearance() ? sighting : sighting.withoutKit();
        return settings.parts().background() ? told : told.withoutBackground();
    }

    /** The tracks of all frames taken. */
    public FilmTracks tracks() {
        return tracked(false).tracks();
    }

    /** The tracks of all frames taken, with the kits. */
    TrackedFilm tracked(boolean staticCamera) {
        return settings.parts().wholeFilm() ? joined(staticCamera) : asTheyCame(staticCamera);
    }

    /** What the frame-by-frame assignment gave. */
    private TrackedFilm asTheyCame(boolean staticCamera) {
        FateBook fates = new FateBook();
        List<Tracklet> tracks = selected(TrackSelection.repeated(builder.tracklets()), fates);
        return told(tracks, OptionalInt.empty(), List.of(), fates, staticCamera);
    }

    private TrackedFilm joined(boolean staticCamera) {
        List<Tracklet> pieces = TrackSelection.repeated(EncounterCutter.cut(builder.tracklets(), builder.encounters()));
        KitLikelihood kits = KitLearner.learn(pieces);
        List<Exchange> exchanges = new ArrayList<>();
        List<Tracklet> linked = link(ofOneTeam(pieces, kits), kits, settings.joinGapSeconds(), appearing(), exchanges);
        FateBook fates = new FateBook();
        List<Tracklet> chosen = selected(linked, fates);
        List<Tracklet> tracks = chosen;
        Optional<SideCounter.Sides> sides = sides(tracks);
        if (sides.isPresent()) {
            tracks = closedBySide(tracks, sides.get(), kits, exchanges);
        } else if (settings.playersPerSide().isPresent()) {
            tracks = closed(tracks, 2 * settings.playersPerSide().getAsInt(), kits, exchanges);
        }
        fates.left(chosen, tracks, t -> Fate.ONE_TOO_MANY);
        List<Tracklet> closed = tracks;
        ExchangeMender mender = new ExchangeMender(settings.motion(), kits, HeightLikelihood.learn(tracks));
        tracks = mender.mended(tracks);
        exchanges.addAll(mender.doubts());
        tracks = new TrackRefiner(settings.motion(), kits, sightings, FALSE_ALARM_DENSITY)
                .refined(tracks).stream()
                        .sorted(Comparator.comparingDouble(Tracklet::startSeconds))
                        .toList();
        fates.left(closed, tracks, t -> Fate.NOT_EXPECTED);
        boolean everyoneHasATeam = sides.isEmpty() && settings.playersPerSide().isPresent();
        OptionalInt perSide = everyoneHasATeam ? settings.playersPerSide() : OptionalInt.empty();
        return told(tracks, perSide, exchanges, fates, staticCamera);
    }

    private List<Tracklet> selected(List<Tracklet> tracks, FateBook fates) {
        List<Tracklet> chosen = TrackSelection.select(tracks, settings, rules, lookSeconds());
        fates.left(tracks, chosen, t -> TrackSelection.whyNot(t, settings, rules, lookSeconds()));
        return chosen;
    }

    private TrackedFilm told(
            List<Tracklet> tracks,
            OptionalInt playersPerSide,
            List<Exchange> exchanges,
            FateBook fates,
            boolean staticCamera) {
        TeamSorter.Sorted teams = sorted(tracks, playersPerSide);
        return new TrackedFilm(
                assembled(tracks, teams, exchanges),
                new TeamKits(rgb(teams.first()), rgb(teams.second())),
                staticCamera,
                fates.fates(sightings.values(), dropped, tracks));
    }

    /** The pieces, cut where they went over from one team to the other, as far as the longest of them tell the kits. */
    private List<Tracklet> ofOneTeam(List<Tracklet> pieces, KitLikelihood kits) {
        List<Tracklet> linked = link(pieces, kits, settings.joinGapSeconds(), appearing(), new ArrayList<>());
        TeamSorter.Sorted teams =
                sorted(TrackSelection.select(linked, settings, rules, lookSeconds()), OptionalInt.empty());
        if (teams.first().isEmpty() || teams.second().isEmpty()) {
            return pieces;
        }
        return new KitChangeCutter(teams.first().get(), teams.second().get()).cut(pieces);
    }

    private double appearing() {
        return settings.whom() == Whom.EVERYONE ? APPEARING_DENSITY_OPEN : APPEARING_DENSITY;
    }

    /** As told, where the kits tell as many apart; else as counted. */
    private Optional<SideCounter.Sides> sides(List<Tracklet> tracks) {
        if (settings.whom() == Whom.EVERYONE) {
            return Optional.empty();
        }
        List<Team> teams = teams(sorted(tracks, OptionalInt.empty()));
        if (settings.playersPerSide().isEmpty()) {
            return SideCounter.count(tracks, teams, rules);
        }
        int each = settings.playersPerSide().getAsInt();
        boolean told = teams.stream().filter(t -> t == Team.FIRST).count() >= each
                && teams.stream().filter(t -> t == Team.SECOND).count() >= each;
        return told ? Optional.of(new SideCounter.Sides(each, each)) : Optional.empty();
    }

    /** Nobody of a kit comes or goes: its pieces are joined over any gap, and at most so many are on the floor at once. */
    private List<Tracklet> closedBySide(
            List<Tracklet> tracks, SideCounter.Sides sides, KitLikelihood kits, List<Exchange> exchanges) {
        List<Team> teams = teams(sorted(tracks, OptionalInt.empty()));
        List<Tracklet> result = new ArrayList<>();
        for (Team team : Team.values()) {
            List<Tracklet> own = new ArrayList<>();
            for (int i = 0; i < tracks.size(); i++) {
                if (teams.get(i) == team) {
                    own.add(tracks.get(i));
                }
            }
            boolean plays = team == Team.FIRST || team == Team.SECOND;
            result.addAll(plays ? closed(own, sides.of(team), kits, exchanges) : own);
        }
        return result;
    }

    private List<Tracklet> closed(List<Tracklet> tracks, int people, KitLikelihood kits, List<Exchange> exchanges) {
        List<Tracklet> joined = link(tracks, kits, Double.MAX_VALUE, APPEARING_DENSITY_CLOSED, exchanges);
        return TrackSelection.atMost(joined, people);
    }

    /** Where there is no game there are no teams. */
    private TeamSorter.Sorted sorted(List<Tracklet> tracks, OptionalInt playersPerSide) {
        if (settings.whom() == Whom.EVERYONE) {
            return new TeamSorter.Sorted(
                    Collections.nCopies(tracks.size(), new TeamSorter.Membership(Team.UNKNOWN, 0)),
                    Optional.empty(),
                    Optional.empty());
        }
        return TeamSorter.sort(
                tracks.stream().map(OfflineTracker::wholeKit).toList(),
                tracks.stream().mapToDouble(t -> t.sightings().size()).toArray(),
                playersPerSide);
    }

    private static Optional<KitColour> wholeKit(Tracklet track) {
        return track.kit(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static List<Team> teams(TeamSorter.Sorted sorted) {
        return sorted.memberships().stream().map(TeamSorter.Membership::team).toList();
    }

    private static OptionalInt rgb(Optional<KitColour> kit) {
        return kit.isPresent() ? OptionalInt.of(kit.get().meanRgb()) : OptionalInt.empty();
    }

    /** Mean time between two looks. */
    private double lookSeconds() {
        return looks < 2 ? 0 : (lastLookSeconds - firstLookSeconds) / (looks - 1);
    }

    private List<Tracklet> link(
            List<Tracklet> unordered, KitLikelihood kits, double gap, double density, List<Exchange> exchanges) {
        List<Tracklet> pieces = unordered.stream()
                .sorted(Comparator.comparingDouble(Tracklet::startSeconds))
                .toList();
        LinkCost cost = new LinkCost(pieces, settings.motion(), kits, gap, density);
        int[] successors = TrackletLinker.successors(pieces, cost, gap);
        exchanges.addAll(ExchangeFinder.find(pieces, successors, cost));
        return TrackletLinker.joined(pieces, TrackletLinker.chains(successors));
    }

    private FilmTracks assembled(List<Tracklet> tracks, TeamSorter.Sorted teams, List<Exchange> exchanges) {
        GapFiller filler = new GapFiller(settings.motion(), settings.fillGapSeconds(), frameTimes, lastLookSeconds);
        List<List<IdentityDoubt>> doubts = doubts(tracks, exchanges);
        List<PlayerTrack> players = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            players.add(new PlayerTrack(
                    i + 1,
                    teams.memberships().get(i).team(),
                    teams.memberships().get(i).probability(),
                    FootContact.told(sided(filler.filled(StatureFeet.placed(tracks.get(i))))),
                    doubts.get(i),
                    new Appearance(TrackNumbers.agreed(tracks.get(i).numbers()), rgb(wholeKit(tracks.get(i))))));
        }
        return new FilmTracks(frameTimes, players, Optional.empty());
    }

    private List<PlayerObservation> sided(List<PlayerObservation> track) {
        return settings.parts().sides() ? LegSides.kept(track) : track;
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
        doubts.forEach(list -> list.sort(
                Comparator.comparingDouble(IdentityDoubt::fromSeconds).thenComparingInt(IdentityDoubt::otherTrackId)));
        return doubts;
    }

    private static IdentityDoubt doubt(Exchange e, int other) {
        return new IdentityDoubt(other + 1, e.fromSeconds(), e.toSeconds(), e.probability());
    }
}
