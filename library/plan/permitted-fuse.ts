/** The largest fuse that the maker of a device permits. */
export interface PermittedFuse {
  /**
   * Rating of the largest fuse or breaker that its maker permits on its feed, A. Above 0, up to 6,000.
   * If the manual names one rating, it is that one.
   *
   * Left out: taken as not known, and only its conductor and its load limit the rating.
   *
   * Example: `maxFuseA: 40`
   */
  readonly maxFuseA?: number;
}
