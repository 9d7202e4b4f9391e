package org.seamledger.photo;

import java.util.Optional;

/**
 * A picture as it is kept.
 *
 * @param jpeg baseline JPEG without any metadata
 * @param location where the camera says that it was taken
 */
@SuppressWarnings("ArrayRecordComponent")
public record ScaledPhoto(byte[] jpeg, int width, int height, Optional<PhotoLocation> location) {
}
