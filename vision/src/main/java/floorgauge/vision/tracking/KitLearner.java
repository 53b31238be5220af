package floorgauge.vision.tracking;

import floorgauge.vision.kit.KitColour;
import floorgauge.vision.kit.KitLikelihood;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Learns from the film's own tracklets how far apart the kits of one person and of two are: windows of one tracklet some
 * time apart against windows of two tracklets at the same time.
 */
final class KitLearner {

    private static final double WINDOW_SECONDS = 1;

    /** Pairs of each kind are taken up to this number, evenly over the film. */
    private static final int MOST_PAIRS = 2000;

    private KitLearner() {}

    private record Window(int tracklet, int slot, KitColour kit) {}

    static KitLikelihood learn(List<Tracklet> tracklets) {
        List<Window> windows = windows(tracklets);
        List<Double> same = new ArrayList<>();
        List<Double> different = new ArrayList<>();
        for (int i = 0; i < windows.size(); i++) {
            for (int k = i + 1; k < windows.size(); k++) {
                Window a = windows.get(i);
                Window b = windows.get(k);
                int slots = b.slot() - a.slot();
                if (slots > 2) {
                    break;
                }
                if (a.tracklet() == b.tracklet() && slots > 0) {
                    same.add(a.kit().distanceTo(b.kit()));
                } else if (a.tracklet() != b.tracklet() && slots == 0) {
                    different.add(a.kit().distanceTo(b.kit()));
                }
            }
        }
        return KitLikelihood.fit(thinned(same), thinned(different));
    }

    /** In order of time. */
    private static List<Window> windows(List<Tracklet> tracklets) {
        List<Window> windows = new ArrayList<>();
        for (int i = 0; i < tracklets.size(); i++) {
            Tracklet t = tracklets.get(i);
            int first = (int) Math.ceil(t.startSeconds() / WINDOW_SECONDS);
            for (int slot = first; (slot + 1) * WINDOW_SECONDS <= t.endSeconds(); slot++) {
                Optional<KitColour> kit = t.kit(slot * WINDOW_SECONDS, (slot + 1) * WINDOW_SECONDS);
                if (kit.isPresent()) {
                    windows.add(new Window(i, slot, kit.get()));
                }
            }
        }
        windows.sort(java.util.Comparator.comparingInt(Window::slot).thenComparingInt(Window::tracklet));
        return windows;
    }

    private static List<Double> thinned(List<Double> all) {
        int step = Math.max(1, (all.size() + MOST_PAIRS - 1) / MOST_PAIRS);
        List<Double> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            kept.add(all.get(i));
        }
        return kept;
    }
}
