package floorgauge.eval.fit;

import java.util.ArrayList;
import java.util.List;

/** Films dealt into folds for cross-validation: each film on its own up to ten, then ten folds in turn. */
final class Folds {

    private static final int MOST = 10;

    private Folds() {}

    /** Number of folds for so many films. */
    static int count(int films) {
        return Math.min(films, MOST);
    }

    /** The items that the fold's fit may see. */
    static <T> List<T> seen(List<T> films, int fold) {
        return pick(films, fold, false);
    }

    /** The items that it is judged on. */
    static <T> List<T> heldOut(List<T> films, int fold) {
        return pick(films, fold, true);
    }

    private static <T> List<T> pick(List<T> films, int fold, boolean inFold) {
        List<T> picked = new ArrayList<>();
        for (int i = 0; i < films.size(); i++) {
            if ((i % count(films.size()) == fold) == inFold) {
                picked.add(films.get(i));
            }
        }
        return picked;
    }
}
