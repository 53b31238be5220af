package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a tracklet where its person's kit turns from one team's into the other's: there it went over to an opponent. The
 * likeliest sequence of teams (A. Viterbi, 1967), with a price for every change, tells where.
 */
final class KitChangeCutter {

    /** A change of teams inside a tracklet, in nats: rarer than one in four hundred sightings. */
    private static final double CHANGE = 6;

    /** One sighting is never surer of a team than this, in nats: the sample may be of the man in front. */
    private static final double MOST = 1.5;

    /** Hellinger distance that counts as one nat. */
    private static final double NAT = 0.1;

    private final KitColour first;
    private final KitColour second;

    KitChangeCutter(KitColour first, KitColour second) {
        this.first = first;
        this.second = second;
    }

    /** The pieces of all tracklets. */
    List<Tracklet> cut(List<Tracklet> tracklets) {
        List<Tracklet> pieces = new ArrayList<>();
        tracklets.forEach(t -> pieces.addAll(t.cutAt(changes(t))));
        return pieces;
    }

    /** Instants from which on the other team is the likelier. */
    private List<Double> changes(Tracklet tracklet) {
        List<Sighting> sightings = tracklet.sightings();
        double[] score = {0, 0};
        boolean[][] changed = new boolean[sightings.size()][2];
        for (int i = 0; i < sightings.size(); i++) {
            double[] next = new double[2];
            double evidence = evidence(sightings.get(i).kit());
            for (int team = 0; team < 2; team++) {
                changed[i][team] = i > 0 && score[1 - team] - CHANGE > score[team];
                double before = changed[i][team] ? score[1 - team] - CHANGE : score[team];
                next[team] = before + (team == 0 ? evidence : -evidence) / 2;
            }
            score = next;
        }
        List<Double> instants = new ArrayList<>();
        int team = score[0] >= score[1] ? 0 : 1;
        for (int i = sightings.size() - 1; i >= 0; i--) {
            if (changed[i][team]) {
                instants.add(0, sightings.get(i).timeSeconds());
                team = 1 - team;
            }
        }
        return instants;
    }

    /** For the first team, against the second. */
    private double evidence(Optional<KitColour> kit) {
        if (kit.isEmpty()) {
            return 0;
        }
        double nats = (kit.get().distanceTo(second) - kit.get().distanceTo(first)) / NAT;
        return Math.max(-MOST, Math.min(MOST, nats));
    }
}
