package floorgauge.eval.tracking;

import java.util.ArrayList;
import java.util.List;

/** Sequences whose similarities are written out as numbers: each place is its own name, looked up in an array. */
final class MatrixScenes {

    /** A truth's or a result's place: which identity, in which frame. */
    record Place(int frame, int identity) {}

    private MatrixScenes() {}

    /**
     * @param similarity by frame, truth, result
     * @param truthPresent by frame and truth, 1 where it is there
     * @param resultPresent by frame and result, 1 where it is there
     */
    static SimilarityTable table(double[][][] similarity, int[][] truthPresent, int[][] resultPresent) {
        return SimilarityTable.of(
                sequence(truthPresent),
                sequence(resultPresent),
                (truth, result) -> similarity[truth.frame()][truth.identity()][result.identity()]);
    }

    private static TrackSequence<Place> sequence(int[][] present) {
        List<TrackFrame<Place>> frames = new ArrayList<>();
        for (int frame = 0; frame < present.length; frame++) {
            List<Sighting<Place>> sightings = new ArrayList<>();
            for (int identity = 0; identity < present[frame].length; identity++) {
                if (present[frame][identity] == 1) {
                    sightings.add(new Sighting<>(identity, new Place(frame, identity)));
                }
            }
            frames.add(new TrackFrame<>(frame, frame / 25.0, sightings));
        }
        return new TrackSequence<>(frames);
    }
}
