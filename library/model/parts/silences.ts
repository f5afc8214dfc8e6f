/* What is not judged without a property that several kinds have. */

export const ratingOfBusOrPanel = "Rating of a bus bar or fuse panel";
export const minimumOfDevice = "Minimum voltage of a device";
