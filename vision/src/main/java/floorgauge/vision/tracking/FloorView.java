package floorgauge.vision.tracking;

import floorgauge.court.calibration.CourtCalibration;

/**
 * A frame's court, and what follows from it. Safe for use by several threads.
 *
 * @param court where the floor lies in the picture
 * @param view which part of the picture the detector looks at
 * @param placer puts people on the floor
 */
record FloorView(CourtCalibration court, DetectionView view, SightingPlacer placer) {

    static FloorView of(CourtCalibration court, TrackingSettings settings) {
        return new FloorView(court, viewOf(court, settings), new SightingPlacer(court, settings));
    }

    private static DetectionView viewOf(CourtCalibration court, TrackingSettings settings) {
        if (!settings.parts().scale()) {
            return DetectionView.whole(court);
        }
        return settings.whom() == Whom.EVERYONE
                ? DetectionView.everywhere(court, settings.courtMarginMetres())
                : DetectionView.of(court, settings.courtMarginMetres());
    }
}
