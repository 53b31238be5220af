package floorgauge.events;

import floorgauge.court.track.IdentityDoubt;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Carries doubts about identities into findings whose roles and span they touch. */
final class Doubts {

    private final Map<Integer, List<IdentityDoubt>> byTrack = new TreeMap<>();

    void add(int trackId, IdentityDoubt doubt) {
        byTrack.computeIfAbsent(trackId, t -> new ArrayList<>()).add(doubt);
    }

    void forgetBefore(double seconds) {
        byTrack.values().forEach(list -> list.removeIf(d -> d.toSeconds() < seconds));
    }

    /** The probability that none of these tracks was exchanged in a span of time; a doubt of two tracks counts once. */
    double sound(List<Integer> trackIds, double from, double to) {
        double sound = 1;
        Set<String> counted = new HashSet<>();
        for (int id : trackIds) {
            for (IdentityDoubt doubt : byTrack.getOrDefault(id, List.of())) {
                int low = Math.min(id, doubt.otherTrackId());
                int high = Math.max(id, doubt.otherTrackId());
                boolean touches = doubt.fromSeconds() <= to && doubt.toSeconds() >= from;
                if (touches && counted.add(low + " " + high + " " + Math.round(doubt.fromSeconds() * 2))) {
                    sound *= 1 - doubt.swapProbability();
                }
            }
        }
        return sound;
    }

    /** The finding with its probability lowered by every doubt, each named; a doubt of two tracks counts once. */
    Finding carriedInto(Finding finding) {
        double sound = 1;
        List<NotSeen> notSeen = new ArrayList<>(finding.notSeen());
        Set<String> counted = new HashSet<>();
        for (RoleHolder holder : finding.roles()) {
            for (IdentityDoubt doubt : byTrack.getOrDefault(holder.trackId(), List.of())) {
                boolean touches =
                        doubt.fromSeconds() <= finding.toSeconds() && doubt.toSeconds() >= finding.fromSeconds();
                int low = Math.min(holder.trackId(), doubt.otherTrackId());
                int high = Math.max(holder.trackId(), doubt.otherTrackId());
                String key = low + " " + high + " " + Math.round(doubt.fromSeconds() * 2);
                if (touches && doubt.swapProbability() > 0 && counted.add(key)) {
                    sound *= 1 - doubt.swapProbability();
                    notSeen.add(new NotSeen("identity of " + Words.player(holder.trackId()), reason(doubt)));
                }
            }
        }
        return counted.isEmpty() ? finding : finding.doubted(finding.probability() * sound, notSeen);
    }

    private static String reason(IdentityDoubt doubt) {
        return String.format(
                Locale.ROOT,
                "it may have been exchanged with %s at %.1f s (%.0f in 100)",
                Words.player(doubt.otherTrackId()),
                doubt.toSeconds(),
                100 * doubt.swapProbability());
    }
}
