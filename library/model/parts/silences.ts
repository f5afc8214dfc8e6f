/* The subjects that are not judged if a property is missing, for properties of several kinds. */

export const ratingOfBusOrPanel = "Rating of a bus bar or fuse panel";
export const minimumOfDevice = "Minimum voltage of a device";
export const maximumOfDevice = "Maximum voltage of a device";
