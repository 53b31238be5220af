package floorgauge.eval.tracking;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The similarities of every truth with every result, frame by frame: all that a matching needs to know. Ids are replaced by
 * indices from 0 in ascending order of id, so that nothing downstream depends on how large or sparse ids are.
 */
public final class SimilarityTable {

    private final List<FrameSimilarities> frames;
    private final List<Integer> truthIds;
    private final List<Integer> resultIds;

    private SimilarityTable(List<FrameSimilarities> frames, List<Integer> truthIds, List<Integer> resultIds) {
        this.frames = List.copyOf(frames);
        this.truthIds = truthIds;
        this.resultIds = resultIds;
    }

    /**
     * Compares in every frame that the truth lists. A result in another frame was not labelled and is left out.
     *
     * @throws IllegalArgumentException if a similarity lies outside 0 to 1
     */
    public static <T> SimilarityTable of(
            TrackSequence<T> truth, TrackSequence<T> result, Similarity<? super T> similarity) {
        Map<Long, TrackFrame<T>> resultByFrame = new HashMap<>();
        result.frames().forEach(f -> resultByFrame.put(f.frame(), f));
        List<TrackFrame<T>> compared = new ArrayList<>();
        for (TrackFrame<T> frame : truth.frames()) {
            TrackFrame<T> other = resultByFrame.get(frame.frame());
            compared.add(other == null ? new TrackFrame<>(frame.frame(), frame.timeSeconds(), List.of()) : other);
        }
        IdIndex truthIndex = IdIndex.of(truth.frames());
        IdIndex resultIndex = IdIndex.of(compared);
        List<FrameSimilarities> frames = new ArrayList<>();
        for (int i = 0; i < compared.size(); i++) {
            frames.add(
                    FrameSimilarities.of(truth.frames().get(i), truthIndex, compared.get(i), resultIndex, similarity));
        }
        return new SimilarityTable(frames, truthIndex.ids(), resultIndex.ids());
    }

    /** In order of frame. */
    public List<FrameSimilarities> frames() {
        return frames;
    }

    /** The truth's ids by index. */
    public List<Integer> truthIds() {
        return truthIds;
    }

    /** The result's ids by index. */
    public List<Integer> resultIds() {
        return resultIds;
    }

    /** Ids in ascending order and their places. */
    record IdIndex(List<Integer> ids, Map<Integer, Integer> indexById) {

        static <T> IdIndex of(List<TrackFrame<T>> frames) {
            TreeSet<Integer> sorted = new TreeSet<>();
            for (TrackFrame<T> frame : frames) {
                for (Sighting<T> sighting : frame.sightings()) {
                    sorted.add(sighting.id());
                }
            }
            List<Integer> ids = List.copyOf(sorted);
            Map<Integer, Integer> index = new HashMap<>();
            for (int i = 0; i < ids.size(); i++) {
                index.put(ids.get(i), i);
            }
            return new IdIndex(ids, index);
        }

        int indexOf(int id) {
            return indexById.get(id);
        }
    }
}
