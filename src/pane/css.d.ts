/** Style sheets are handed to webpack, which puts them beside the bundle. */
declare module "*.css";
